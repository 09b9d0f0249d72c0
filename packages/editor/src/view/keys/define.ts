import { KeysElement } from './keys.js';

if (!customElements.get('trimwell-keys')) customElements.define('trimwell-keys', KeysElement);
