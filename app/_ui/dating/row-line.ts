/** How far under the top of its row a bar is drawn, in pixels: beside the first line of what the row says. */
export const ROW_LINE = 19;
