import type { Edge } from '@trimwell/sketch';
import type { SessionElement } from '../session-element.js';
import type { EdgeSlipElement } from './edge-slip.js';

/**
 * Opens the slip of punches for `edge` of the selected piece beside `anchor` (in the window), in the shadow of `part`, which it is taken
 * out of again when it is closed. Its pictures are loaded when the first one is opened.
 */
export async function openEdgeSlip(part: SessionElement, edge: Edge, anchor: DOMRect): Promise<void> {
  await import('./define.js');
  if (!part.isConnected || part.renderRoot.querySelector('trimwell-edge-slip')) return;
  const slip = document.createElement('trimwell-edge-slip') as EdgeSlipElement;
  Object.assign(slip, { session: part.session, pointing: part.pointing, edge });
  slip.addEventListener('slip-away', () => slip.remove(), { once: true });
  part.renderRoot.append(slip);
  await slip.openBeside(anchor);
}
