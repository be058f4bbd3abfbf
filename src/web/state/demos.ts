/** Crafts invented for this project, with the app. */
export const demos = [
  {
    file: 'heron.yaml',
    name: 'Heron',
    says: 'a 2.4 m one-person sled for counting birds, one 100 cc engine',
    text: () => import('../../../demo/heron.yaml?raw').then((m) => m.default),
  },
  {
    file: 'teal.yaml',
    name: 'Teal',
    says: 'a 2.8 m kneel-on sled for cutting lake weed, two 60 cc engines on one shaft',
    text: () => import('../../../demo/teal.yaml?raw').then((m) => m.default),
  },
] as const
