/** Where the season's figures stand as text, for those who do not see its picture. */
export const SEASON_TABLES = 'season-tables'
