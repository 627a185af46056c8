/** What ground and clear air do with light, and the ultraviolet's share of it. */
import { lightFile } from "./files.ts";

export const { ground, ultravioletShare, air } = lightFile;
