/** A quarter of a turn, drawn. */
export function QuarterTurn({ left = false }: { readonly left?: boolean }) {
  return (
    <svg width="18" height="18" viewBox="0 0 18 18" aria-hidden="true" focusable="false">
      <path
        d="M3 15A11 11 0 0 1 14 4M10.500.800 14.200 4l-3.700 3.200"
        fill="none"
        stroke="currentColor"
        strokeWidth="1.500"
        transform={left ? "matrix(-1 0 0 1 18 0)" : undefined}
      />
    </svg>
  );
}
