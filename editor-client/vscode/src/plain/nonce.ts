/** A word that nobody can guess: only scripts and styles that carry it run in a view. */
export const newNonce = (): string => btoa(String.fromCharCode(...crypto.getRandomValues(new Uint8Array(16))));
