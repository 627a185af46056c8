/** Tells open pages what was added, so that nobody has to ask again and again. */

/** What was added to a project: the number of its latest revision, or of its journal's latest entry. */
export interface News {
  readonly kind: "revision" | "journal";
  readonly number: number;
}

export interface Live {
  tell(project: string, news: News): void;
  /** The function given back ends it. */
  listen(project: string, hear: (news: News) => void): () => void;
}

export function liveNews(): Live {
  const listeners = new Map<string, Set<(news: News) => void>>();
  return {
    tell: (project, news) => {
      for (const hear of listeners.get(project) ?? []) hear(news);
    },
    listen: (project, hear) => {
      const all = listeners.get(project) ?? new Set();
      listeners.set(project, all.add(hear));
      return () => {
        all.delete(hear);
        if (all.size === 0) listeners.delete(project);
      };
    },
  };
}
