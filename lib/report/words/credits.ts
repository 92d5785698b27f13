/** Who made the data that travels with the library, and under which licence: told wherever an answer may rest on it. */

/** What a data file's sidecar says of its origin. */
export interface DataSidecar {
  readonly file: string;
  readonly title?: string;
  readonly what?: string;
  readonly source?: string;
  readonly licence?: string;
  readonly credit?: string;
  readonly sources?: readonly {
    readonly title: string;
    readonly agency: string;
    /** Left out, the file's. */
    readonly licence?: string;
  }[];
  readonly changed?: string | readonly string[];
}

const sentence = (text: string): string => (/[.!?]$/.test(text) ? text : `${text}.`);

const sourcesOf = ({ sources, source, licence }: DataSidecar): string =>
  sources === undefined
    ? [source, licence].filter((part) => part !== undefined).join("; ")
    : sources
        .map((one) => `${one.title}, ${one.agency} (${one.licence ?? licence ?? "licence not stated"})`)
        .join("; ");

/** One data file: what it is, whose, under which licence, what was changed. */
export const creditOf = (sidecar: DataSidecar): string =>
  [
    `${sidecar.file}: ${sentence(sidecar.title ?? sidecar.what ?? "data")}`,
    sentence(`From: ${sourcesOf(sidecar)}`),
    ...(sidecar.sources === undefined || sidecar.licence === undefined
      ? []
      : [sentence(`Licence: ${sidecar.licence}`)]),
    ...(sidecar.credit === undefined ? [] : [sentence(sidecar.credit)]),
    ...(sidecar.changed === undefined ? [] : [sentence(`Changed: ${[sidecar.changed].flat().join("; ")}`)]),
  ].join(" ");

/** Every file's makers and licences in one line, each once: what fits on paper. */
export const shortCredit = (sidecars: readonly DataSidecar[]): string => {
  const makers = sidecars.flatMap((sidecar) =>
    (sidecar.sources ?? [{ agency: sidecar.source ?? "", licence: sidecar.licence ?? "" }]).map(
      ({ agency, licence }) =>
        `${agency.replace(/(:|;|,| \/| \(| and ).*$/, "")} (${(licence ?? sidecar.licence ?? "").replace(/[;(:,].*$/, "").trim()})`,
    ),
  );
  return `Data, changed: ${[...new Set(makers)].sort().join("; ")}.`;
};
