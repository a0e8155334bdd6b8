/** A struck disc with a second, smaller punch over its edge: a countermark. */
export function Wordmark({ size = 26 }: { readonly size?: number }) {
  return (
    <svg width={size} height={size} viewBox="0 0 26 26" aria-hidden="true" focusable="false">
      <circle cx="11" cy="11" r="9.75" fill="none" stroke="currentColor" strokeWidth="1.5" />
      <circle
        cx="11"
        cy="11"
        r="6.6"
        fill="none"
        stroke="currentColor"
        strokeWidth="0.8"
        strokeDasharray="1 1.6"
      />
      <path
        d="M17.6 9.6 25 17l-7.4 7.4-7.4-7.4z"
        fill="var(--verdigris)"
        stroke="var(--paper)"
        strokeWidth="1.6"
      />
      <path d="M19.9 14.9a3 3 0 1 0 0 4.2" fill="none" stroke="var(--paper)" strokeWidth="1.5" />
    </svg>
  );
}
