/** A switch thrown: the fed line goes on, its place at rest stays as a ghost. */
export function ThrowPicture() {
  return (
    <svg className="teach-picture" viewBox="0 0 352 176" aria-hidden="true" fill="none">
      <path d="M42 46h88M222 46h88" stroke="var(--feed)" strokeWidth="3" />
      <path d="M60 40l8 6-8 6M94 40l8 6-8 6M238 40l8 6-8 6M276 40l8 6-8 6" stroke="var(--feed)" strokeWidth="2" />
      <path d="M134 48l84 46" stroke="var(--ghost)" strokeWidth="4" strokeLinecap="round" />
      <path d="M134 46h84" stroke="var(--ink)" strokeWidth="5" strokeLinecap="round" />
      <path d="M226 96h84" stroke="var(--floating)" strokeWidth="2.4" strokeLinecap="round" strokeDasharray="0.1 7" />
      <g fill="var(--panel)" stroke="var(--ink)" strokeWidth="2">
        <circle cx="134" cy="46" r="4" />
        <circle cx="218" cy="46" r="4" />
        <circle cx="218" cy="96" r="4" />
      </g>
      <rect x="101" y="121" width="150" height="38" rx="9" fill="var(--desk)" />
      <rect x="178" y="124" width="70" height="32" rx="7" fill="var(--accent)" />
      <text x="140" y="145" textAnchor="middle" fontSize="14" fill="var(--ink-2)">
        Rest
      </text>
      <text x="213" y="145" textAnchor="middle" fontSize="14" fontWeight="600" fill="var(--on-accent)">
        Open
      </text>
    </svg>
  );
}

/** A wire broken: fed up to the break, floating beyond, and the lamp dark. */
export function FaultPicture() {
  return (
    <svg className="teach-picture" viewBox="0 0 352 176" aria-hidden="true" fill="none">
      <path d="M42 56h112" stroke="var(--feed)" strokeWidth="3" />
      <path
        d="M182 56h68v22"
        stroke="var(--floating)"
        strokeWidth="2.4"
        strokeLinecap="round"
        strokeDasharray="0.1 7"
      />
      <rect x="128" y="44" width="80" height="24" rx="12" stroke="var(--ink)" strokeWidth="2" />
      <path d="M160 64l8-16M168 64l8-16" stroke="var(--ink)" strokeWidth="2.4" strokeLinecap="round" />
      <circle cx="250" cy="96" r="17" fill="var(--panel)" stroke="var(--ink)" strokeWidth="2" />
      <path d="M238 84l24 24M262 84l-24 24" stroke="var(--ink)" strokeWidth="2" />
      <path d="M248 114v28M252.5 114v28" stroke="var(--return)" strokeWidth="1.6" />
      <path d="M234 142h32M241 142l-6 9M251 142l-6 9M261 142l-6 9" stroke="var(--ink)" strokeWidth="2" />
      <path d="M42 40l6.5-11 6.5 11z" fill="var(--feed)" />
      <text x="62" y="40" fontSize="13" fontWeight="600" fill="var(--ink)">
        12.4 V
      </text>
      <circle cx="228" cy="36" r="5" stroke="var(--floating)" strokeWidth="1.8" />
      <text x="240" y="40" fontSize="13" fill="var(--ink-2)">
        floating
      </text>
      <text x="168" y="96" textAnchor="middle" fontSize="13" fill="var(--ink-2)">
        <tspan fontWeight="600" fill="var(--ink)">
          W14
        </tspan>
        <tspan dx="5">broken</tspan>
      </text>
    </svg>
  );
}

/** Three knots of the sounding line, the next one lit. */
export function ProbePicture() {
  const rows = [
    { y: 32, pin: "X6-6", reads: "12.4–12.7 V" },
    { y: 86, pin: "X6-4", reads: "11.9–12.3 V" },
    { y: 141, pin: "X6-5", reads: "0.0–0.2 V" },
  ];
  return (
    <svg className="teach-picture" viewBox="0 0 352 176" aria-hidden="true" fill="none">
      <path d="M72 46v80" stroke="var(--rule)" strokeWidth="2" />
      {rows.map(({ y, pin, reads }, index) => (
        <g key={pin} fontSize="15" fontWeight="600">
          <rect
            x="59"
            y={y - 13}
            width="26"
            height="26"
            rx="7"
            fill={index === 1 ? "var(--accent)" : "var(--panel)"}
            stroke={index === 1 ? "var(--accent)" : "var(--edge)"}
            strokeWidth="1.5"
          />
          <text
            x="72"
            y={y + 5}
            textAnchor="middle"
            fontSize="13"
            fill={index === 1 ? "var(--on-accent)" : "var(--ink-2)"}
          >
            {index + 1}
          </text>
          <text x="104" y={y + 5} fill="var(--ink)">
            {pin}
          </text>
          <text x="296" y={y + 5} textAnchor="end" fontSize="14" fill="var(--ink)">
            {reads}
          </text>
        </g>
      ))}
    </svg>
  );
}
