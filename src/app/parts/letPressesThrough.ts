/** What is long is done in parts: between two of them, what she has pressed meanwhile is answered and drawn. */
export function letPressesThrough(): Promise<void> {
  return new Promise((done) => setTimeout(done));
}
