// A page that has terms to touch and no other script.
import { startTerms } from "../help/touched.js";

startTerms();
