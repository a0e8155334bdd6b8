import styles from "./site-header.module.css";

/** The scale that lies beside the object in every conservation photograph, as the line under the header. */
export function MeasureRule() {
  return (
    <svg className={styles.measure} width="100%" height="11" aria-hidden="true" focusable="false">
      <defs>
        <pattern id="measure" width="80" height="11" patternUnits="userSpaceOnUse">
          <path
            d="M.5 0v10M8.5 0v4M16.5 0v4M24.5 0v4M32.5 0v4M40.5 0v7M48.5 0v4M56.5 0v4M64.5 0v4M72.5 0v4"
            stroke="currentColor"
          />
        </pattern>
      </defs>
      <rect width="100%" height="11" fill="url(#measure)" />
      <path d="M0 .5h10000" stroke="currentColor" />
    </svg>
  );
}
