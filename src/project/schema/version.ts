/** The version of the project file that this program writes. Apart from the schema, so that who writes one need not load it. */
export const SCHEMA_VERSION = 1;
