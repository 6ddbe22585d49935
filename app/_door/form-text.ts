/** A form's field as text; a missing one, or a file where text is asked for, is empty. */
export function textOf(form: FormData, name: string): string {
  const value = form.get(name);
  return typeof value === "string" ? value : "";
}
