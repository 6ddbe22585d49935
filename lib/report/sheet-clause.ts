/** One clause as a line of the sheet. */
export interface SheetClause {
  readonly result: string;
  readonly title: string;
  readonly detail: string;
  readonly clause: string;
  readonly checkYourCopy: boolean;
}
