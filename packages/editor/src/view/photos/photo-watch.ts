import type { ReactiveControllerHost } from 'lit';
import { type PhotoShelf, photoShelf } from './photo-shelf.js';

/** Calls `repaint` whenever the photographs at hand have changed, as long as `host` is in the page. */
export function watchPhotos(host: ReactiveControllerHost, repaint: () => void, shelf: PhotoShelf = photoShelf): void {
  let stop = (): void => {};
  host.addController({
    hostConnected: () => {
      stop = shelf.subscribe(repaint);
    },
    hostDisconnected: () => stop(),
  });
}
