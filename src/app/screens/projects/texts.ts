import { useMemo } from "react";
import { type ProjectsTexts, projectsTexts } from "../../../words/index.ts";
import { useLocale } from "../../frame/index.ts";

export function useProjectsTexts(): ProjectsTexts {
  const locale = useLocale();
  return useMemo(() => projectsTexts(locale), [locale]);
}
