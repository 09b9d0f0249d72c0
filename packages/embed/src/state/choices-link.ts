import { CHOICES } from './fragment.js';

/** The address of `page` with `code` in its fragment; what else stands there stays. */
export function linkWithChoices(page: string, code: string): string {
  const [address = '', fragment = ''] = page.split('#', 2);
  const others = fragment.split('&').filter((each) => each !== '' && !each.startsWith(CHOICES));
  return `${address}#${[...others, `${CHOICES}${code}`].join('&')}`;
}
