// Prints what dxf-parser, which shares no code with ours, reads in each DXF file named. Run with NODE_PATH at its folder.
const { readFileSync } = require("fs");
const Parser = require("dxf-parser");
const Reader = Parser.default || Parser;

const drawings = process.argv.slice(2).map((file) => {
  const drawing = new Reader().parseSync(readFileSync(file, "utf-8"));
  return { header: drawing.header, layers: drawing.tables.layer.layers, entities: drawing.entities };
});
process.stdout.write(JSON.stringify(drawings));
