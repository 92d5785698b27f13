import { basename } from "node:path";
import { csvText, type Table } from "../report/table/table.ts";
import { type Provenance, tableMetadata } from "../report/table/table-metadata.ts";
import type { WholeFile } from "./write-file.ts";

/** A table as the files it travels in: the CSV, and beside it its metadata. None when no path was given. */
export const tableFiles = <Row>(
  path: string | undefined,
  table: Table<Row>,
  provenance: Provenance,
): readonly WholeFile[] =>
  path === undefined
    ? []
    : [
        { path, content: csvText(table) },
        {
          path: `${path}-metadata.json`,
          content: `${JSON.stringify(tableMetadata(table, basename(path), provenance), null, 2)}\n`,
        },
      ];
