export { DraftEditor } from "./draft-editor";
export { InstrumentFields } from "./instrument-fields";
export { JobEditor } from "./job-editor";
export { OpenWelds } from "./open-welds";
export { RecordView } from "./record-view";
export { SignForm } from "./sign-form";
