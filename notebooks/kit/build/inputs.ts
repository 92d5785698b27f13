import "@observablehq/inputs/dist/index.css";

export * from "@observablehq/inputs";
