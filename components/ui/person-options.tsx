/** People as a list offers them: by name, with their mark where they have one. */
export function PersonOptions({
  people,
}: {
  people: readonly { readonly id: string; readonly name: string | null; readonly mark: string | null }[];
}) {
  return people.map(({ id, name, mark }) => (
    <option key={id} value={id}>
      {name}
      {mark && ` (${mark})`}
    </option>
  ));
}
