import { ActionForm, NewAddress } from "@/components/course";
import { Button, Field, Panel, PersonOptions } from "@/components/ui";
import type { HandInRecord } from "@/lib/classroom";
import { linkHandInsAction, newAddressAction } from "../actions";

/** Whose a hand-in is, where only a typed name came with it, and a new address for whoever lost theirs. */
export function HandInNames({
  handIn,
  members,
}: {
  handIn: HandInRecord;
  members: readonly { readonly id: string; readonly name: string; readonly mark: string | null }[];
}) {
  return (
    <Panel title="Whose it is">
      {handIn.personId === null && (
        <ActionForm action={linkHandInsAction.bind(null, handIn.id)} label="Whose it is">
          <p>
            {handIn.student ? `“${handIn.student}” was typed` : "No name is left"}; it belongs to nobody in
            the list yet.
          </p>
          {members.length > 0 ? (
            <>
              <Field label="It is" hint="All that this group handed in under the same name goes along.">
                {(ids) => (
                  <select {...ids} name="person">
                    <PersonOptions people={members} />
                  </select>
                )}
              </Field>
              <Button type="submit">Link it</Button>
            </>
          ) : (
            <p>Add the student to the group first.</p>
          )}
        </ActionForm>
      )}
      <NewAddress renew={newAddressAction.bind(null, handIn.id)} />
    </Panel>
  );
}
