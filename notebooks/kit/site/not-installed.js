throw new Error(
  "This package is not installed, and the notebooks do not use the network. Add it with npm and name it in notebooks/kit/offline.ts.",
);
export default undefined;
