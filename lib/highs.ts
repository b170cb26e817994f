// `mixwright/highs`: the second engine, HiGHS. The other entries do without its WebAssembly; `search: {highs}` hands it to them.

export {solveAsync} from "./lp/solve/solve-async.ts";
export {type Highs, loadHighs} from "./lp/engines/engine-highs.ts";
