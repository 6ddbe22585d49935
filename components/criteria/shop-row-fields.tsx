"use client";

import { ArrowDown, ArrowUp, Trash2, X } from "lucide-react";
import { LengthField } from "@/components/setup";
import { Button, Field } from "@/components/ui";
import { shopQuantities, type ShopQuantity, type ShopRow } from "@/lib/accept";
import { groupStyles, type MarkGroup } from "@/lib/marks";
import { shopFieldText, shopQuantityWords, shopRowText } from "@/lib/report";
import { imperfectionIds, imperfections, type ImperfectionId } from "@/lib/trade";
import type { UnitPreferences } from "@/lib/units";
import { hasLimit, hasWindow, mayFollowThickness, measuredBy } from "./shop-draft";
import styles from "./criteria.module.css";

export interface ShopRowFieldsProps {
  readonly row: ShopRow;
  readonly place: number;
  readonly last: boolean;
  readonly units: UnitPreferences;
  /** Message of the schema for a field of this row; undefined while it fits. */
  readonly error: (field: keyof ShopRow) => string | undefined;
  readonly onChange: (row: ShopRow) => void;
  readonly onMove: (by: -1 | 1) => void;
  readonly onRemove: () => void;
}

/** One limit: what it is about, how it is measured, how much is allowed, and the sentence that makes. */
export function ShopRowFields(props: ShopRowFieldsProps) {
  const { row, place, last, units, error, onChange, onMove, onRemove } = props;
  const change = (part: Partial<ShopRow>) => onChange({ ...row, ...part });
  const name = row.title || `limit ${place + 1}`;
  return (
    <fieldset className={styles.row}>
      <legend>{place + 1}</legend>
      <p className={styles.line} aria-live="polite" data-testid="row-line">
        {shopRowText(row, units)}
      </p>
      <Imperfections row={row} error={sentence(error("imperfections"))} change={change} />
      <div className={styles.fields}>
        <Field label="Measured by">
          {(ids) => (
            <select
              {...ids}
              value={row.quantity}
              onChange={({ target }) => onChange(measuredBy(row, target.value as ShopQuantity))}
            >
              {shopQuantities.map((quantity) => (
                <option key={quantity} value={quantity}>
                  {shopQuantityWords[quantity]}
                </option>
              ))}
            </select>
          )}
        </Field>
        <Limit row={row} units={units} error={error} change={change} />
        <Field label="Title" hint="As it stands in the verdict." error={titleError(error("title"))}>
          {(ids) => (
            <input
              {...ids}
              value={row.title}
              maxLength={120}
              autoComplete="off"
              onChange={({ target }) => change({ title: target.value })}
            />
          )}
        </Field>
        <Field label="Clause or reason" hint="Of your contract or drawing, or why the shop asks for it.">
          {(ids) => (
            <input
              {...ids}
              value={row.note}
              maxLength={500}
              autoComplete="off"
              onChange={({ target }) => change({ note: target.value })}
            />
          )}
        </Field>
      </div>
      <div className={styles.tools}>
        <Button aria-label={`Move ${name} up`} disabled={place === 0} onClick={() => onMove(-1)}>
          <ArrowUp size={20} aria-hidden="true" />
        </Button>
        <Button aria-label={`Move ${name} down`} disabled={last} onClick={() => onMove(1)}>
          <ArrowDown size={20} aria-hidden="true" />
        </Button>
        <Button aria-label={`Take ${name} off`} onClick={onRemove}>
          <Trash2 size={20} aria-hidden="true" /> Take off
        </Button>
      </div>
    </fieldset>
  );
}

const sentence = (message: string | undefined): string | undefined =>
  message === undefined ? undefined : shopFieldText(message);
const titleError = (message: string | undefined): string | undefined =>
  message === undefined ? undefined : "Give this limit a title of up to 120 letters.";

type Change = (part: Partial<ShopRow>) => void;

function Imperfections({
  row,
  error,
  change,
}: {
  readonly row: ShopRow;
  readonly error: string | undefined;
  readonly change: Change;
}) {
  const add = (id: ImperfectionId) =>
    change({
      imperfections: [...row.imperfections, id],
      // The first one chosen is what most people would call the row.
      ...(row.title === "" ? { title: imperfections[id].name } : {}),
    });
  return (
    <div className={styles.about}>
      {row.imperfections.length > 0 && (
        <ul className={styles.chosen}>
          {row.imperfections.map((id) => (
            <li key={id}>
              <Button
                aria-label={`Not ${imperfections[id].name}`}
                onClick={() => change({ imperfections: row.imperfections.filter((one) => one !== id) })}
              >
                {imperfections[id].name} <X size={18} aria-hidden="true" />
              </Button>
            </li>
          ))}
        </ul>
      )}
      <Field label={row.imperfections.length === 0 ? "Imperfection" : "And"} error={error}>
        {(ids) => (
          <select
            {...ids}
            value=""
            onChange={({ target }) => {
              if (target.value) add(target.value as ImperfectionId);
            }}
          >
            <option value="">choose …</option>
            {(Object.keys(groupStyles) as MarkGroup[]).map((group) => (
              <optgroup key={group} label={groupStyles[group].name}>
                {imperfectionIds
                  .filter((id) => imperfections[id].group === group && !row.imperfections.includes(id))
                  .map((id) => (
                    <option key={id} value={id}>
                      {imperfections[id].name}
                    </option>
                  ))}
              </optgroup>
            ))}
          </select>
        )}
      </Field>
    </div>
  );
}

function Limit({
  row,
  units,
  error,
  change,
}: {
  readonly row: ShopRow;
  readonly units: UnitPreferences;
  readonly error: ShopRowFieldsProps["error"];
  readonly change: Change;
}) {
  const { quantity } = row;
  return (
    <>
      {hasLimit(quantity) &&
        (quantity === "count" ? (
          <NumberInput
            label="At most"
            value={row.limit}
            step={1}
            error={sentence(error("limit"))}
            onChange={(limit) => change({ limit })}
          />
        ) : (
          <LengthField
            label="Limit"
            value={row.limit}
            units={units}
            allowZero
            error={sentence(error("limit"))}
            onChange={(limit) => change({ limit })}
          />
        ))}
      {mayFollowThickness(quantity) && (
        <NumberInput
          label="or part of the thickness, %"
          hint="With a limit too, the smaller of both holds. Empty: the thickness does not matter."
          value={row.ofThickness === null ? null : Number((row.ofThickness * 100).toFixed(4))}
          step={0.1}
          error={sentence(error("ofThickness"))}
          onChange={(percent) =>
            change({ ofThickness: percent === null ? null : Number((percent / 100).toFixed(6)) })
          }
        />
      )}
      {hasWindow(quantity) && (
        <LengthField
          label="In any stretch of"
          hint="The worst one counts. Empty: the whole weld."
          value={row.windowMm}
          units={units}
          allowZero
          error={sentence(error("windowMm"))}
          onChange={(windowMm) => change({ windowMm })}
        />
      )}
    </>
  );
}

function NumberInput({
  label,
  hint,
  value,
  step,
  error,
  onChange,
}: {
  readonly label: string;
  readonly hint?: string;
  readonly value: number | null;
  readonly step: number;
  readonly error: string | undefined;
  readonly onChange: (value: number | null) => void;
}) {
  return (
    <Field label={label} hint={hint} error={error}>
      {(ids) => (
        <input
          {...ids}
          type="number"
          min="0"
          step={step}
          inputMode={step === 1 ? "numeric" : "decimal"}
          defaultValue={value ?? ""}
          onChange={({ target }) =>
            onChange(Number.isFinite(target.valueAsNumber) ? target.valueAsNumber : null)
          }
        />
      )}
    </Field>
  );
}
