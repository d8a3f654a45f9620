/** The hash of the one style that a page allows itself, as its policy states it; null when the page states none. */
export const styleHashOf = (page: string): string | null => /style-src '(sha256-[A-Za-z0-9+/=]+)'/.exec(page)?.[1] ?? null;

/** The policy of the frame around the page: the extension's own script by nonce, the page's style by its hash, pictures within the page. */
export const policyFor = (nonce: string, styleHash: string | null): string =>
  [
    "default-src 'none'",
    `script-src 'nonce-${nonce}'`,
    `style-src 'nonce-${nonce}'${styleHash === null ? '' : ` '${styleHash}'`}`,
    'img-src data:',
    "frame-src 'self'",
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
