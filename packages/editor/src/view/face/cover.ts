/** Far more than any stage, in pixels. */
const FAR = 8_000;

/**
 * What always covers the same area and is not seen. A browser composes the page anew when the area that some marks take
 * changes, and only paints them anew when it does not (seen in Chromium); under this the area stays what it was.
 */
export function coverBox(scale: number): { readonly [name in 'x' | 'y' | 'width' | 'height']: string } {
  const far = FAR / scale;
  return { x: String(-far), y: String(-far), width: String(2 * far), height: String(2 * far) };
}
