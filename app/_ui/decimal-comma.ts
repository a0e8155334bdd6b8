/**
 * Makes a comma typed or pasted into a number a decimal point. Half the world writes 12,5; the number field takes the
 * comma for a sign between thousands and drops it, which makes 125 of it. To be given as the `ref` of what holds the
 * field, so that it comes before the field's own listener.
 */
export function decimalComma(holder: HTMLElement | null): (() => void) | undefined {
  if (!holder) return undefined;
  holder.addEventListener("beforeinput", pointForComma, true);
  return () => holder.removeEventListener("beforeinput", pointForComma, true);
}

function pointForComma(event: InputEvent): void {
  const { target, data } = event;
  if (!(target instanceof HTMLInputElement) || !data?.includes(",")) return;
  event.preventDefault();
  event.stopPropagation();
  const end = target.value.length;
  target.setRangeText(
    data.replace(",", "."),
    target.selectionStart ?? end,
    target.selectionEnd ?? end,
    "end",
  );
  target.dispatchEvent(new Event("input", { bubbles: true }));
}
