export { Session, type SessionChange } from './session/session.js';
export type { PlanView } from './session/plan-messages.js';
export { TrimwellEditor } from './view/editor.js';
