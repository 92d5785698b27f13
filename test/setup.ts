import fc from "fast-check";

// The same random cases on every machine and in every run, so that a red run can be repeated. FC_SEED tries others.
fc.configureGlobal({ seed: Number(process.env.FC_SEED ?? 20_270_401) });
