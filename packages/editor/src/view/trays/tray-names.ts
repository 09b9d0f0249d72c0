/** What can be drawn out from under the table. Each tray is loaded when it is first wanted. */
export type TrayName = 'new card' | 'shelf' | 'card' | 'papers' | 'tools' | 'keys' | 'hand on' | 'build';

/** Asks the table for a tray; `about` is the record that it should show first (a paper, a punch). */
export interface TrayWish {
  readonly tray: TrayName;
  readonly about?: string;
}

/** The event by which any part of the table asks for a tray, through every shadow root. */
export function trayWish(wish: TrayWish): CustomEvent<TrayWish> {
  return new CustomEvent('tray-wish', { detail: wish, bubbles: true, composed: true });
}
