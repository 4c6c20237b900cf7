import { type QueryKey, type UseMutationResult, type UseQueryResult, useMutation, useQuery, useQueryClient } from "@tanstack/react-query";
import { ShopFault } from "./shopClient.ts";

interface ReadOptions<T> {
  readonly enabled?: boolean;
  readonly select?: (read: T) => T;
  /** Reads again this often, ms; null: only when something it shows was changed. */
  readonly everyMs?: number | null;
}

/** What a room reads from the shop: kept while it is looked at, read again when something it shows was changed. The first word of a key is the kind of thing. */
export function useRead<T>(key: QueryKey, read: () => Promise<T>, options: ReadOptions<T> = {}): UseQueryResult<T, ShopFault> {
  const { enabled = true, select, everyMs = null } = options;
  return useQuery<T, ShopFault>({
    queryKey: key,
    queryFn: read,
    enabled,
    refetchInterval: everyMs ?? false,
    ...(select === undefined ? {} : { select }),
  });
}

/** A write. When it is done everything of the kinds it touches is read again; also where somebody else was quicker, since what is shown is old then. */
export function useWrite<Asked, T>(
  write: (asked: Asked) => Promise<T>,
  touches: readonly string[],
): UseMutationResult<T, ShopFault, Asked> {
  const client = useQueryClient();
  const readAgain = () => Promise.all(touches.map((kind) => client.invalidateQueries({ queryKey: [kind] })));
  return useMutation<T, ShopFault, Asked>({
    mutationFn: write,
    onSuccess: readAgain,
    onError: (fault) => (fault instanceof ShopFault && fault.isKind("changedMeanwhile") ? readAgain() : undefined),
  });
}
