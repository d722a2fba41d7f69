// The name of an entry: made where it was entered, never twice.

/** 16 random bytes as 22 characters of base64url; also where the browser does not trust the address. */
export function newId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return btoa(String.fromCharCode(...bytes))
    .replaceAll('+', '-')
    .replaceAll('/', '_')
    .replaceAll('=', '');
}
