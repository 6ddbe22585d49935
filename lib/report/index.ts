export {
  gaugeWords,
  missingSentence,
  missingWords,
  reasonWords,
  resultWords,
  verdictWords,
} from "./verdict-words";
