import { parseHTML } from "linkedom";

/** A document to draw charts in, where there is no browser. */
export const chartDocument = (): Document => parseHTML("<!doctype html><html><body></body></html>").document;
