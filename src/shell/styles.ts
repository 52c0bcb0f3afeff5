/** All style sheets of a page: the look of the text, then the parts, then the frame around them. */
import "../look/index.css";
import "../inputs/inputs.css";
import "../blocks/parts-panel.css";
import "../blocks/parts-sections.css";
import "../blocks/chain.css";
import "../blocks/blocks.css";
import "../blocks/card.css";
import "./shell.css";
import "./menu.css";
import "./messages.css";
