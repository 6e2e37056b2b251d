import fc from 'fast-check';

// The same random cases in every run, so that a red test means a change of the code and not of the weather. Fresh ones:
// FC_SEED=$RANDOM npx vitest run tests/properties
fc.configureGlobal({ seed: Number(process.env.FC_SEED ?? 20_260_314) });
