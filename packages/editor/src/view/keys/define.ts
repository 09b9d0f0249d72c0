import { defineAll } from '../define-all.js';
import { KeysElement } from './keys.js';

defineAll({
  'trimwell-keys': KeysElement,
});
