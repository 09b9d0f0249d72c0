interface Policy {
  createScriptURL(address: string): unknown;
}

/** What the types of the DOM do not know of yet (W3C Trusted Types). */
interface Trusting {
  readonly trustedTypes?: {
    createPolicy(name: string, rules: { createScriptURL: (address: string) => string }): Policy;
  };
}

/** The folder that this script and all its parts lie in. */
const HOME = new URL('.', import.meta.url).origin;

let policy: Policy | null | undefined;

/** On pages that ask for trusted types, our own scripts are trusted by the policy `trimwell`, and no others. */
function trusted(address: string): unknown {
  if (policy === undefined) {
    policy =
      (globalThis as Trusting).trustedTypes?.createPolicy('trimwell', {
        createScriptURL: (wished) => {
          if (wished.startsWith('blob:') || new URL(wished).origin === HOME) return wished;
          throw new TypeError(`${wished} is no script of Trimwell`);
        },
      }) ?? null;
  }
  return policy ? policy.createScriptURL(address) : address;
}

/**
 * A script of our own that runs beside the page. It stands in the place of the browser's `Worker` where one is opened, in the
 * one form that bundlers look for, and opens it under the rules of the page.
 */
export class OwnScript {
  constructor(
    private readonly address: URL,
    private readonly options: WorkerOptions,
  ) {}

  /** @throws Error where the page forbids it. */
  open(): Worker {
    const { href, origin } = this.address;
    if (origin === location.origin || origin === 'null') return this.#worker(href);
    // A worker must come from the page's own origin; one that only imports the script may be written on the spot.
    const start = new Blob([`import ${JSON.stringify(href)};`], { type: 'text/javascript' });
    return this.#worker(URL.createObjectURL(start));
  }

  #worker(address: string): Worker {
    // The types of the DOM do not know of trusted addresses yet.
    return new Worker(trusted(address) as string, this.options);
  }
}
