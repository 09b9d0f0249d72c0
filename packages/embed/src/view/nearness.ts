/** How far below or above the view a sketch begins to load: about a page on a phone. */
const MARGIN = '600px 0px';

const waiting = new WeakMap<Element, () => void>();
let observer: IntersectionObserver | null = null;

/** Calls `near` once, when `element` comes near the view; at once where a browser cannot tell. */
export function whenNear(element: Element, near: () => void): void {
  if (typeof IntersectionObserver === 'undefined') {
    near();
    return;
  }
  observer ??= new IntersectionObserver(
    (entries) => {
      for (const { target, isIntersecting } of entries) {
        if (!isIntersecting) continue;
        const call = waiting.get(target);
        notNear(target);
        call?.();
      }
    },
    { rootMargin: MARGIN },
  );
  waiting.set(element, near);
  observer.observe(element);
}

/** Forgets `element`. */
export function notNear(element: Element): void {
  waiting.delete(element);
  observer?.unobserve(element);
}
