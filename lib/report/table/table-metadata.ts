import type { Table } from "./table.ts";

/** What made a table, told beside it. */
export interface Provenance {
  /** The plan as read, every default in it. */
  readonly plan: unknown;
  /** The models used, in words. */
  readonly models: readonly string[];
  /** What a reader of the numbers must know: where their cloud is from, how sure it is, what to beware of [nothing]. */
  readonly notes?: readonly string[];
  /** This library's version. */
  readonly version: string;
}

const numberFormat = (decimals: number): string => (decimals === 0 ? "0" : `0.${"0".repeat(decimals)}`);

/**
 * Metadata for a table's CSV file by the W3C Recommendation "Metadata Vocabulary for Tabular Data" (2015):
 * what each column is, its datatype and unit, and what the numbers were made from.
 *
 * @param url the CSV file, relative to the metadata file
 * @returns a JSON-LD object, to be written as `<csv file>-metadata.json`
 */
export const tableMetadata = <Row>(
  { title, columns, key }: Table<Row>,
  url: string,
  { plan, models, notes = [], version }: Provenance,
): Readonly<Record<string, unknown>> => ({
  "@context": ["http://www.w3.org/ns/csvw", { "@language": "en" }],
  url,
  "dc:title": title,
  "dc:creator": `panel-season ${version}`,
  "dc:description": models.join("; "),
  ...(notes.length === 0 ? {} : { "rdfs:comment": notes }),
  notes: [{ plan }],
  dialect: { encoding: "utf-8", header: true, delimiter: ",", lineTerminators: ["\r\n"], quoteChar: '"' },
  tableSchema: {
    primaryKey: key,
    columns: columns.map(({ name, title: heading, unit, datatype, says, decimals = 0 }) => ({
      name,
      // The first title is the header found in the file, which a validator compares; the second is for people.
      titles: name === heading ? [name] : [name, heading],
      "dc:description": says,
      ...(unit === undefined ? {} : { "schema:unitText": unit }),
      datatype:
        datatype === "date"
          ? { base: "date", format: "yyyy-MM-dd" }
          : datatype === "boolean"
            ? { base: "boolean", format: "true|false" }
            : datatype === "decimal"
              ? { base: "decimal", "dc:description": `rounded to ${numberFormat(decimals)}` }
              : { base: datatype },
      required: key.includes(name),
    })),
  },
});
