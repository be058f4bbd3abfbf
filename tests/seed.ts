import fc from 'fast-check'

/**
 * One seed for every property test, so that a run can be repeated and a build does not fail by chance.
 * Look for new counterexamples with another seed: FC_SEED=$RANDOM npm test.
 */
fc.configureGlobal({ seed: Number(process.env['FC_SEED'] ?? 20261125) })
