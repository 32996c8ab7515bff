/** What our own server needs of the pages' side before it hands a request to the framework. */
export { admit } from "./admission";
export { faultWords, reportFault, reportUntold } from "./faults";
export { refusalOf } from "./gate";
export { answering } from "./this-request";
