export { laySoffit } from "./lay.ts";
export { type Soffit, soffitsOf } from "./spec.ts";
