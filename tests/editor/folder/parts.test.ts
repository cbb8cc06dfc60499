import { change, closeAll, read, show, untilFound, untilGone, write } from "../designs";
import { layHouse } from "../house";

describe("sheets", () => {
  afterEach(closeAll);

  /** The sheets, with one blank behind each colon, however they are laid out. */
  const inverters = async () => (await read("examples/training/parts/inverters.sun")).replaceAll(/: +/g, ": ");

  /** A design with a sheet of its own for the inverter. */
  async function layWithSheet(name: string): Promise<string> {
    await write(`examples/training/parts/${name}`, await inverters());
    return layHouse((text) => text.replace("parts/inverters.sun", `parts/${name}`));
  }

  it("that are edited have an open design computed again, before they are saved", async () => {
    const design = await show(await layWithSheet("edited.sun"));
    await untilFound(design.uri, "string-voltage");
    const sheet = await show("examples/training/parts/edited.sun");
    await change(sheet, "max-dc-voltage: 600 V", "max-dc-voltage: 700 V");
    await untilGone(design.uri, "string-voltage");
    await change(sheet, "max-dc-voltage: 700 V", "max-dc-voltage: 500 V");
    await untilFound(design.uri, "string-voltage");
  });

  it("that are changed by another program have an open design computed again", async () => {
    const design = await show(await layWithSheet("written.sun"));
    await untilFound(design.uri, "string-voltage");
    const text = await read("examples/training/parts/written.sun");
    await write(
      "examples/training/parts/written.sun",
      text.replaceAll("max-dc-voltage: 600 V", "max-dc-voltage: 700 V"),
    );
    await untilGone(design.uri, "string-voltage");
  });
});
