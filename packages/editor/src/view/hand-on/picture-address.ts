/** An SVG as an address for an image, in which it can neither run anything nor ask for anything. */
export function pictureAddress(svg: string): string {
  return `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svg)}`;
}
