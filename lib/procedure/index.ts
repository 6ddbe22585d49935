export { procedureNumbers, type ProcedureNumbers } from "./numbers";
export { SteelSchema } from "./steel";
