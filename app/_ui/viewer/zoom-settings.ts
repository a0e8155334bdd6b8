/** How every picture that can be brought nearer behaves. The wheel alone scrolls the page, as elsewhere. */
export const ZOOM = {
  minScale: 1,
  maxScale: 10,
  limitToBounds: true,
  wheel: {
    step: 0.004,
    activationKeys: (keys: string[]) => keys.includes("Control") || keys.includes("Meta"),
  },
  keyboard: { disabled: false, panStep: 40, zoomStep: 0.5, animationTime: 0 },
  doubleClick: { mode: "toggle" as const, step: 1.5, animationTime: 150 },
  zoomAnimation: { animationTime: 120 },
  velocityAnimation: { disabled: true },
};
