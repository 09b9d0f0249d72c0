export { sharedCode, shareLink } from './keeping/share-link.js';
export type { PlanView } from './session/plan-messages.js';
export { Session, type SessionChange } from './session/session.js';
export { TrimwellEditor } from './view/editor.js';
