"use client";

import Link from "next/link";
import { usePathname } from "next/navigation";

type NavLink = { readonly href: string; readonly label: string };

/** The main ways in; the one that holds the page being read says so. */
export function NavLinks({
  links,
  className,
}: {
  readonly links: readonly NavLink[];
  readonly className?: string | undefined;
}) {
  const path = usePathname();
  const holds = (href: string) =>
    href === "/" ? path === "/" || path.startsWith("/look-up") : path.startsWith(href);
  return (
    <ul className={className}>
      {links.map(({ href, label }) => (
        <li key={href}>
          <Link href={href} aria-current={holds(href) ? (path === href ? "page" : "true") : undefined}>
            {label}
          </Link>
        </li>
      ))}
    </ul>
  );
}
