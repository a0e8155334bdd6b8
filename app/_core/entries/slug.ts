/** Is the text a name for an address: lower-case letters, digits and single hyphens, at most 100? */
export const isSlug = (text: string): boolean => /^[a-z0-9]+(-[a-z0-9]+)*$/.test(text) && text.length <= 100;
