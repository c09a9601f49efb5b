/** Made by `src/tools/licencesPlugin.ts` while the page is built. */
declare module 'virtual:licences' {
  export const LICENCES: {
    readonly packages: readonly {
      readonly name: string
      readonly version: string
      readonly licence: string
      readonly text: number | null
    }[]
    readonly texts: readonly string[]
  }
}
