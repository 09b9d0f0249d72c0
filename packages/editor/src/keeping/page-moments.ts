/** The moments in the life of a page that matter to who keeps something of it. */
export interface PageMoments {
  /** The page is put out of sight or left: it may never come back. */
  left(): void;
  /** The page comes into sight again. */
  seen(): void;
  /** Whether leaving now would lose something; the browser asks the user first then. */
  mayLose(): boolean;
}

/** Calls `moments` as they come; the function that comes back ends it. Outside a page none come. */
export function watchPage(moments: PageMoments): () => void {
  if (typeof document === 'undefined') return () => {};
  const onVisibility = (): void => (document.visibilityState === 'hidden' ? moments.left() : moments.seen());
  const onLeave = (event: BeforeUnloadEvent): void => {
    if (moments.mayLose()) event.preventDefault();
  };
  const onHide = (): void => moments.left();
  document.addEventListener('visibilitychange', onVisibility);
  window.addEventListener('pagehide', onHide);
  window.addEventListener('beforeunload', onLeave);
  return () => {
    document.removeEventListener('visibilitychange', onVisibility);
    window.removeEventListener('pagehide', onHide);
    window.removeEventListener('beforeunload', onLeave);
  };
}
