/** An empty module: what the kit's sample data sets are replaced by. */
export {};
