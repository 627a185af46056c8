/** Whether what is on the sheet can only be looked at. */
import { createContext, useContext } from "react";

export const ReadOnlyContext = createContext(false);

export const useReadOnly = (): boolean => useContext(ReadOnlyContext);
