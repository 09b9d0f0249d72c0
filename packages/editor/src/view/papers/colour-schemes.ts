import type { Look } from '@trimwell/sketch';

/** Colours that go together: a ground and four inks. */
export interface ColourScheme extends Pick<Look, 'ground'> {
  readonly name: string;
  readonly inks: readonly [string, string, string, string];
}

/** A few schemes of our own invention to start from. */
export const COLOUR_SCHEMES: readonly ColourScheme[] = [
  { name: 'Fern hollow', ground: '#f3efdf', inks: ['#4f7a5f', '#a8bf8f', '#c9653f', '#2f4a41'] },
  { name: 'Rowan', ground: '#f4e1d6', inks: ['#ad3f33', '#e0975a', '#5c6f4f', '#7a2f35'] },
  { name: 'Honey jar', ground: '#f8ecc9', inks: ['#d79a2b', '#8f5f1f', '#e8c873', '#5b4630'] },
  { name: 'Slate tide', ground: '#e6edec', inks: ['#3f6b82', '#8fb3b6', '#d8b48a', '#22394a'] },
  { name: 'Late plum', ground: '#efe2e8', inks: ['#7b3b5e', '#c07f9c', '#8d9a6b', '#4a2440'] },
  { name: 'Night walk', ground: '#27304a', inks: ['#e8d191', '#9fb0cf', '#cf7c5f', '#f5efe0'] },
  { name: 'Deep moss', ground: '#2f5145', inks: ['#d9dfb8', '#8fb08f', '#e3a866', '#f3eee0'] },
  { name: 'Parcel', ground: '#c9a57a', inks: ['#fbf3e2', '#7a5636', '#a33f2f', '#3d3a34'] },
];
