// Help: the list of topics, and its search.
import { startSearch } from "../help/box.js";

await startSearch();
