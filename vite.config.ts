import { notebookConfig } from "./notebooks/kit/build/config.ts";

export default notebookConfig();
