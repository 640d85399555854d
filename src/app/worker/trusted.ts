/** What the browser gives back for an address that the policy has let through; a plain text where it knows no policies. */
type TrustedAddress = string;

type PolicyFactory = {
  createPolicy(
    name: string,
    rules: { readonly createScriptURL: (address: string) => string },
  ): { createScriptURL(address: string): TrustedAddress };
};

declare global {
  interface Window {
    readonly trustedTypes?: PolicyFactory;
  }
}

const rules = { createScriptURL: ownAddress };

// The only policy there is: whatever else would run a script from an address is stopped by the browser.
const policy = globalThis.window?.trustedTypes?.createPolicy("verso-worker", rules) ?? rules;

/** The address of one of our own workers, as `Worker` and `register` take it. Throws for any other origin. */
export function workerAddress(address: string): TrustedAddress {
  return policy.createScriptURL(address);
}

function ownAddress(address: string): string {
  const { origin, href } = new URL(address, location.href);
  if (origin !== location.origin) throw new Error(`a worker of another origin: ${origin}`);
  return href;
}
