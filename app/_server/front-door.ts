/** What our own server needs of the pages' side before it hands a request to the framework. */
export { faultWords, reportFault, reportUntold } from "./faults";
export { allowedMethods, refusalOf } from "./gate";
export { answering } from "./this-request";
