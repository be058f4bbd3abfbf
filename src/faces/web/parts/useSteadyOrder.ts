import { useMemo, useRef } from 'react'

/**
 * Things in the order they were first shown in, for as long as `of` stays the same: what is under the hand must not change places
 * when a better answer comes. New ones come last.
 */
export function useSteadyOrder<T extends { path: string }>(items: readonly T[], of: string): readonly T[] {
  const kept = useRef<{ of: string; paths: string[] }>({ of, paths: [] })
  return useMemo(() => {
    if (kept.current.of !== of) kept.current = { of, paths: [] }
    const { paths } = kept.current
    for (const { path } of items) if (!paths.includes(path)) paths.push(path)
    return [...items].sort((a, b) => paths.indexOf(a.path) - paths.indexOf(b.path))
  }, [items, of])
}
