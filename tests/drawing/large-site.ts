/** A site of about so many items: inverters with two strings each, four to a board, all boards on one main board. */
export function largeSite(items: number): string {
  const perInverter = 10;
  const inverters = Math.max(4, Math.round(items / (perInverter + 0.25)));
  const boards = Math.ceil(inverters / 4);
  const lines = [
    'site "Larch Park" {}',
    "part Panel is module { power: 400 W  open-circuit-voltage: 37 V  open-circuit-voltage-coefficient: -0.27 %/K }",
    "part Lead is cable { conductor-area: 6 mm2 }",
    "supply GRID { voltage: 230 V  phases: 3  earthing: TN-S }",
  ];
  const main = Array.from({ length: boards }, (_, index) => `    way ${index + 1}: breaker M${index + 1} { poles: 4 }`);
  lines.push("board MAIN {", `    ways: ${boards + 4}`, ...main, "}", "run WG from GRID to MAIN: 8 m of Lead");
  for (let board = 1; board <= boards; board++) {
    const own = Array.from({ length: 4 }, (_, index) => `    way ${index + 1}: breaker K${index + 1} { poles: 4 }`);
    lines.push(`board B${board} {`, "    isolator MS { poles: 4 }", ...own, "}");
    lines.push(`run WB${board} from MAIN.M${board} to B${board}: 30 m of Lead`);
  }
  for (let number = 1; number <= inverters; number++) {
    const at = (name: string): string => `${name}${number}`;
    lines.push(`inverter ${at("V")} { tracker a {} tracker b {} ac { rated-power: 10 kW  phases: 3 } }`);
    for (const side of ["a", "b"]) {
      const own = (name: string): string => `${name}${number}${side}`;
      lines.push(`string ${own("S")} is 16 x Panel`, `isolator ${own("Q")} { poles: 2 }`, `spd ${own("F")} {}`);
      lines.push(`run ${own("WS")} from ${own("S")} to ${own("Q")}: 20 m of Lead`);
      lines.push(`run ${own("WQ")} from ${own("Q")} to ${at("V")}.${side}: 2 m of Lead`);
      lines.push(`run ${own("WF")} from ${own("Q")} to ${own("F")}: 0.3 m of Lead`);
    }
    lines.push(`isolator ${at("D")} { poles: 4 }`, `meter ${at("M")} {}`, `isolator ${at("E")} { poles: 4 }`);
    lines.push(`run ${at("WV")} from ${at("V")}.ac to ${at("D")}: 1 m of Lead`);
    lines.push(`run ${at("WD")} from ${at("D")} to ${at("M")}: 1 m of Lead`);
    lines.push(`run ${at("WM")} from ${at("M")} to ${at("E")}: 1 m of Lead`);
    const way = `B${Math.ceil(number / 4)}.K${((number - 1) % 4) + 1}`;
    lines.push(`run ${at("WE")} from ${at("E")} to ${way}: 5 m of Lead`);
  }
  return lines.join("\n");
}
