/** SVG filters that both the boat and its papers are drawn with, on pictures of 1,600 pixels. */
export const FILTERS = `<defs>
  <filter id="grain" x="0" y="0" width="100%" height="100%">
    <feTurbulence type="fractalNoise" baseFrequency="0.9" numOctaves="2" seed="4"/>
    <feColorMatrix values="0 0 0 0 0.5  0 0 0 0 0.5  0 0 0 0 0.5  0.35 0 0 0 -0.06"/>
  </filter>
  <filter id="cloud" x="0" y="0" width="100%" height="100%">
    <feTurbulence type="fractalNoise" baseFrequency="0.004" numOctaves="4" seed="11"/>
    <feColorMatrix values="0 0 0 0 0.25  0 0 0 0 0.2  0 0 0 0 0.12  0.9 0 0 0 -0.36"/>
  </filter>
  <filter id="worn" x="-5%" y="-5%" width="110%" height="110%">
    <feTurbulence type="fractalNoise" baseFrequency="0.035 0.05" numOctaves="5" seed="23" result="noise"/>
    <feColorMatrix in="noise" values="0 0 0 0 0.62  0 0 0 0 0.6  0 0 0 0 0.56  0 9 0 0 -5.9" result="bare"/>
    <feComposite in="bare" in2="SourceAlpha" operator="in" result="flakes"/>
    <feMerge><feMergeNode in="SourceGraphic"/><feMergeNode in="flakes"/></feMerge>
  </filter>
  <filter id="rust" x="-5%" y="-5%" width="110%" height="110%">
    <feTurbulence type="fractalNoise" baseFrequency="0.012 0.02" numOctaves="5" seed="57" result="noise"/>
    <feColorMatrix in="noise" values="0 0 0 0 0.36  0 0 0 0 0.17  0 0 0 0 0.08  0 0 7 0 -4.3" result="brown"/>
    <feComposite in="brown" in2="SourceAlpha" operator="in" result="spots"/>
    <feMerge><feMergeNode in="SourceGraphic"/><feMergeNode in="spots"/></feMerge>
  </filter>
  <filter id="soft" x="-20%" y="-60%" width="140%" height="220%"><feGaussianBlur stdDeviation="16"/></filter>
  <filter id="focus"><feGaussianBlur stdDeviation="0.7"/></filter>
</defs>`;
