/** What a screen gets back from an action: the value, or a code with its sentence. */
export type Answer<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly code: string; readonly message: string };
